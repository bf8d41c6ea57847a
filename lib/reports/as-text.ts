/** One item of the report as JSON. Throws a RangeError for a number that JSON cannot hold. */
export function asText(value: object): string {
  refuseInfinite(value);
  return JSON.stringify(value);
}

/** JSON would write null for them, without a reason. */
function refuseInfinite(value: object): void {
  // Item by item: a list of all of them, for each of many lines, takes as long as writing the line.
  for (const key in value) {
    const field: unknown = value[key as keyof typeof value];
    if (typeof field === 'number') {
      if (!Number.isFinite(field))
        throw new RangeError(`The report's ${key} is ${field}, which is not a number that can be printed.`);
    } else if (typeof field === 'object' && field !== null) refuseInfinite(field);
  }
}
