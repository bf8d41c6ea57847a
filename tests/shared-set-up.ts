interface Shared {
  made: Promise<{ value: unknown; end: () => Promise<void> | void }>;
  users: number;
}

// The projects of one run are set up in one process, each with modules of its own.
const held = globalThis as typeof globalThis & { rehangSharedSetUps?: Map<string, Shared> };

/**
 * What several test projects need alike is made by the first that asks, and taken down with the last.
 * @returns what was made, and how this project lets it go.
 */
export async function sharedSetUp<Value>(
  name: string,
  make: () => Promise<{ value: Value; end: () => Promise<void> | void }>,
): Promise<{ value: Value; letGo: () => Promise<void> }> {
  const all = (held.rehangSharedSetUps ??= new Map<string, Shared>());
  const shared = all.get(name) ?? { made: make(), users: 0 };
  all.set(name, shared);
  shared.users += 1;
  const { value, end } = await shared.made;
  return {
    value: value as Value,
    letGo: async () => {
      shared.users -= 1;
      if (shared.users > 0) return;
      all.delete(name);
      await end();
    },
  };
}
