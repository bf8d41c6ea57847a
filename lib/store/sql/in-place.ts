/** ON CONFLICT of `insertRows`: the row of this key that is there already says what the new one says. */
export const inPlace = (key: string, columns: readonly string[]): string =>
  `("${key}") DO UPDATE SET ${columns.map((column) => `"${column}" = excluded."${column}"`).join(', ')}`;
