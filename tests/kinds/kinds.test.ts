import { describe, expect, test } from "vitest";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { addCard } from "../../src/document/card-edits.ts";
import { buildGraph } from "../../src/graph/build.ts";
import { cautionWords, rowWords } from "../../src/graph/words.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { workOut } from "../../src/studies/work-out.ts";

/** The least that each kind shows, by the names that worksheets and links lean on; what a later card brings is not here yet. */
const NAMES: Readonly<Record<string, string>> = {
  site: "latitude elevation water_temperature today season_start season_end storage_rule minutes_per_day water_at atmospheric_head water_density water_viscosity",
  weather:
    "record rain_scale eto_factor days mean_yearly_rain driest_year driest_year_rain longest_dry_run mean_yearly_eto peak_day_eto eto_method",
  roof: "footprint material runoff_coefficient wetting_loss first_flush drains_to catch_from catch_until design_storm downspout_diameter downspout_count catch_per_depth mean_yearly_catch driest_year_catch storm_flow downspout_capacity dip_rain dip_catch coefficient_in_use frost_days",
  tank: "shape capacity water_height count ground_height stand_height outlet_height cover overflows_to start_share leak level_today usable reachable full_weight floor_pressure days_of_autonomy mean_yearly_spill lowest_level lasts_until",
  line: "from to length bore roughness fittings_k valve_bore valve_coefficient valve_band check_valve route reference_share head flow velocity reynolds friction_head refill_time purge_flow opening full_by",
  tee: "height head",
  filter: "on k clogged_share clean_every head_lost",
  pump: "rated_voltage curve open_flow shutoff_head rated_current no_flow_current stall_current maker_fuse powered_by lowest_water head_at_no_flow flow_at_no_head",
  delivery:
    "pump from hose_length hose_bore fittings_k outlet_height head_k bucket_volume bucket_time flow head power current efficiency arriving_voltage watering_time drawdown_time",
  wire: "feeds gauge one_way_length wire_temperature insulation fuse resistance drop drop_share ampacity fuse_size",
  panel:
    "rated_power voc vmp isc imp health count tilt azimuth losses controller charges daily_energy recharge_time direct_hours direct_flow_share",
  battery:
    "chemistry rated_capacity nominal_voltage health depth_of_discharge round_trip_efficiency charged charge_today usable_energy pumping_time waterings_per_charge days_without_sun",
  bed: "length width contents plant_count spot_area wetted_share soil root_depth cover cover_factor mulch method efficiency watered_by priority worth worth_weight rule fixed_volume fixed_every last_soaked area peak_day_need season_need season_got season_past_roots outside_days watering_volume watering_interval first_soak cans_per_watering share_met days_short",
  carry:
    "can_volume can_weight from distance pace cans_at_once fill_time pour_time trips_per_watering weight_per_trip time_per_watering season_weight season_distance",
  draw: "from volume every season_volume share_met days_short",
  season:
    "hold_days days_of_autonomy need got share_met days_short seasons seasons_short worst_season worst_season_days_short worst_season_share_met longest_short_run spill balance_error binding driest_year_share_met left_out worst_date worst_date_lasts reliability_volume reliability_days reliability_years no_failure_storage",
  cost: "currency total yearly per_volume",
  own: "name unit formula note",
};

describe("every card kind", () => {
  test.each(Object.entries(NAMES))("%s shows the names that links lean on", (kind, names) => {
    const has = new Set(CARD_KINDS[kind]?.rows.map((row) => row.name));
    expect(names.split(" ").filter((name) => !has.has(name))).toEqual([]);
  });

  test("what a measured number teaches is kept in a row that may be measured itself", () => {
    for (const kind of Object.values(CARD_KINDS)) {
      const mayBe = new Set(
        kind.rows.filter((row) => "measurable" in row && row.measurable).map((row) => row.name),
      );
      for (const row of kind.rows) {
        const lesson = "measurable" in row ? row.measurable?.lesson : undefined;
        if (lesson !== undefined) expect(mayBe.has(lesson), `${kind.kind}.${row.name}`).toBe(true);
      }
    }
    expect(CARD_KINDS["line"]?.rows.find((row) => row.name === "refill_time")).toHaveProperty(
      "measurable.lesson",
      "opening",
    );
  });

  test.each(Object.values(CARD_KINDS).map((kind) => [kind.kind, kind] as const))(
    "%s has rows that read as words, each with its source",
    (_, kind) => {
      const seen = new Set<string>();
      for (const row of kind.rows) {
        expect(row.name).toMatch(/^[a-z][a-z0-9_]*$/);
        expect(seen.has(row.name), `${row.name} stands twice`).toBe(false);
        seen.add(row.name);
        expect(row.label, row.name).not.toBe("");
        if (!row.hidden) expect(row.label, row.name).not.toContain("_");
      }
      for (const caution of kind.cautions) {
        expect(seen.has(caution.beside), `${caution.id} stands beside ${caution.beside}`).toBe(true);
      }
      const said = kind.cautions.map((caution) => JSON.stringify([caution.id, caution.if, caution.where]));
      expect(new Set(said).size, "a caution is said once").toBe(said.length);
    },
  );

  test.each(Object.values(CARD_KINDS).map((kind) => [kind.kind, kind] as const))(
    "%s: every row that is shown has its meaning and its source in the room's words, every caution its text, and no words are left over",
    (name, kind) => {
      const { rows, cautions } = KIND_WORDS[name] ?? { rows: {}, cautions: {} };
      const shown = kind.rows.filter((row) => !row.hidden);
      expect(Object.keys(rows).sort()).toEqual(shown.map((row) => row.name).sort());
      for (const row of kind.rows) {
        expect(row.help ?? row.source, `${row.name} has words of its own beside the room's`).toBeUndefined();
        if (row.hidden) continue;
        const { help, source } = rowWords(KIND_WORDS, name, row);
        expect(help, row.name).not.toBe("");
        expect(source, row.name).not.toBe("");
      }
      expect(Object.keys(cautions).sort()).toEqual(kind.cautions.map(({ id }) => id).sort());
      const texts = kind.cautions.map((caution) => cautionWords(KIND_WORDS, name, caution)?.text ?? "");
      expect(new Set(texts).size, "a caution that is said twice").toBe(texts.length);
      for (const caution of kind.cautions) {
        const said = cautionWords(KIND_WORDS, name, caution);
        expect(said?.text, caution.id).not.toBe("");
        expect(said?.source, caution.id).not.toBe("");
      }
    },
  );

  test("a new card of every kind evaluates: nothing fails, and what is none says why", () => {
    let worksheet = emptyWorksheet();
    for (const kind of Object.values(CARD_KINDS)) if (!kind.single) worksheet = addCard(worksheet, kind.kind);
    const { results } = workOut(worksheet, CARD_KINDS);
    const failures = results.ids.flatMap((id) => {
      const result = results.get(id);
      return result?.state === "failed" ? [{ id, text: result.problem.text }] : [];
    });
    // What hangs on links that are not drawn yet is left out of the season, and says so as a failure there.
    expect(failures.filter(({ text }) => !text.includes("Left out of the season: "))).toEqual([]);
    for (const id of results.ids) {
      const result = results.get(id);
      if (result?.state === "none") expect(result.reason, id).not.toBe("");
    }
  });

  test("formulas of all kinds compile and fit their dimensions", () => {
    let worksheet = emptyWorksheet();
    for (const kind of Object.values(CARD_KINDS)) if (!kind.single) worksheet = addCard(worksheet, kind.kind);
    const problems = buildGraph(worksheet, CARD_KINDS).problems;
    expect(problems).toEqual([]);
  });
});

test("a kind called like something every object has is no known kind", () => {
  for (const name of ["constructor", "__proto__", "toString"]) expect(CARD_KINDS[name]).toBeUndefined();
});
