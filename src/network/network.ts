// The parts of a place that water and power go through, and how they hang together: plain nodes and edges, put together
// once from the links of all cards. An edge that can never carry anything stays in, with the reason.

/** What a part is to the water: a tank and a battery store, a joint only parts, a waterer is a pump's hose or cans. */
export type Role = "roof" | "tank" | "joint" | "draw" | "waterer" | "pump" | "battery" | "panel" | "bed";

export type NetworkNode = { readonly id: string; readonly role: Role };

/**
 * `catches`: a roof into a tank; `feeds`: a line from a tank or joint to another; `spills`: a tank's overflow into
 * another; `draws`: out of a tank to a waterer or another draw; `powers`: a battery, panel or pump to what it drives;
 * `charges`: a panel to a battery; `waters`: a waterer to a bed.
 */
export type EdgeKind = "catches" | "feeds" | "spills" | "draws" | "powers" | "charges" | "waters";

export type Edge = {
  readonly kind: EdgeKind;
  /** Id of the card that makes it: the line itself, else the part whose link it is. */
  readonly by: string;
  readonly from: string;
  /** Null: an open end over the ground. */
  readonly to: string | null;
  /** Why nothing ever goes through it; null where it runs. */
  readonly stopped: string | null;
};

export type Network = { readonly nodes: readonly NetworkNode[]; readonly edges: readonly Edge[] };

/**
 * A network in one order, whatever the order of the cards: nodes by id; edges by the card that makes them, those of one
 * card as they come (a bed's waterers are tried in turn). An edge from or to what is no node is left out.
 */
export function networkOf(nodes: readonly NetworkNode[], edges: readonly Edge[]): Network {
  const known = new Set(nodes.map(({ id }) => id));
  const whole = edges.filter(({ from, to }) => known.has(from) && (to === null || known.has(to)));
  return {
    nodes: [...nodes].sort((a, b) => (a.id < b.id ? -1 : 1)),
    edges: [...whole].sort((a, b) => (a.by === b.by ? 0 : a.by < b.by ? -1 : 1)),
  };
}

/** The network that a value holds; one of nothing where it holds none. */
export function networkHeld(value: unknown): Network {
  const holds = typeof value === "object" && value !== null && "nodes" in value && "edges" in value;
  return holds ? (value as Network) : networkOf([], []);
}

/** Ids of all parts of a role. */
export const idsOf = (network: Network, role: Role): readonly string[] =>
  network.nodes.filter((node) => node.role === role).map(({ id }) => id);

export const roleOf = (network: Network, id: string): Role | null =>
  network.nodes.find((node) => node.id === id)?.role ?? null;

/** Edges of a kind that lead to a part, or from it, stopped ones among them. */
export const edgesTo = (network: Network, kind: EdgeKind, id: string): readonly Edge[] =>
  network.edges.filter((edge) => edge.kind === kind && edge.to === id);

export const edgesFrom = (network: Network, kind: EdgeKind, id: string): readonly Edge[] =>
  network.edges.filter((edge) => edge.kind === kind && edge.from === id);

/** Whether anything ever goes through an edge. */
export const runs = ({ stopped }: Edge): boolean => stopped === null;

/** Why a line, or what hangs on one link, never carries anything; null where it runs, or is no edge at all. */
export function whyStopped(network: Network, by: string): string | null {
  const edges = network.edges.filter((edge) => edge.by === by);
  return edges.every((edge) => edge.stopped !== null) ? (edges[0]?.stopped ?? null) : null;
}

/** The same network with every edge stopped that one of these parts makes or stands at, for the reason given. */
export function withStopped(network: Network, reasons: ReadonlyMap<string, string>): Network {
  if (reasons.size === 0) return network;
  const edges = network.edges.map((edge) => {
    if (edge.stopped !== null) return edge;
    const why = [edge.by, edge.from, edge.to ?? ""].map((id) => reasons.get(id)).find((text) => text);
    return why === undefined ? edge : { ...edge, stopped: why };
  });
  return { ...network, edges };
}

/**
 * What water must stand over for a line ever to carry it, and how high it can stand at the line's start when that is a
 * tank, both above one datum [m].
 */
export type LineHeights = { readonly over: number; readonly brim: number | null };

/**
 * The same network with those lines stopped that leave a joint to which nothing that runs brings water, or none that ever
 * stands high enough for them.
 *
 * @param heights of every line by its id
 */
export function withDryJoints(network: Network, heights: ReadonlyMap<string, LineHeights>): Network {
  const joints = new Set(idsOf(network, "joint"));
  const highest = highestAtJoints(network, joints, heights);
  const edges = network.edges.map((edge) => {
    if (edge.kind !== "feeds" || edge.stopped !== null || !joints.has(edge.from)) return edge;
    const stands = highest.get(edge.from) ?? -Infinity;
    if (stands === -Infinity) return { ...edge, stopped: "no water comes to the joint it starts at" };
    if (stands > (heights.get(edge.by)?.over ?? -Infinity)) return edge;
    return { ...edge, stopped: "the water at the joint never stands high enough for it" };
  });
  return { ...network, edges };
}

/** How high water can ever stand at each joint: as high as the fullest tank that feeds it, through other joints too [m]. */
function highestAtJoints(
  network: Network,
  joints: ReadonlySet<string>,
  heights: ReadonlyMap<string, LineHeights>,
): ReadonlyMap<string, number> {
  const highest = new Map([...joints].map((id) => [id, -Infinity]));
  const into = network.edges.filter(
    (edge) => edge.kind === "feeds" && runs(edge) && joints.has(edge.to ?? ""),
  );
  // As many rounds as there are joints settle every chain; joints in a ring only hand the same height on.
  for (let round = 0; round < joints.size; round++) {
    for (const { by, from, to } of into) {
      const line = heights.get(by);
      const stands = joints.has(from) ? (highest.get(from) ?? -Infinity) : (line?.brim ?? Infinity);
      if (stands <= (line?.over ?? -Infinity)) continue;
      highest.set(to ?? "", Math.max(highest.get(to ?? "") ?? -Infinity, stands));
    }
  }
  return highest;
}
