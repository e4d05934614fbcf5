// While a number is turned most of the drawing stays as it was: what was made of the same text is taken again.

/** The same function, remembering what it made of so many texts; then it forgets all of them, so that nothing grows. */
export function remembering<Made>(most: number, make: (text: string) => Made): (text: string) => Made {
  const known = new Map<string, Made>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const made = make(text);
    if (known.size >= most) known.clear();
    known.set(text, made);
    return made;
  };
}
