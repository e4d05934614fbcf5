// What is made when it is first asked for, and kept.

export function once<Made extends object>(make: () => Made): () => Made {
  let made: Made | null = null;
  return () => {
    made ??= make();
    return made;
  };
}
