/** Things that are found to belong together, pair by pair (union and find, paths halved as they are walked). */
export interface DisjointSets {
  readonly join: (a: number, b: number) => void;
  /** The same number for all that belong together. */
  readonly root: (of: number) => number;
}

/** @param count - of things, each alone at first */
export function disjointSets(count: number): DisjointSets {
  const parent = Uint32Array.from({ length: count }, (_, i) => i);
  const root = (of: number): number => {
    let r = of;
    while (parent[r] !== r) {
      parent[r] = parent[parent[r]!]!;
      r = parent[r]!;
    }
    return r;
  };
  return {
    root,
    join: (a, b) => {
      parent[root(a)] = root(b);
    },
  };
}
