/**
 * What sessions are signed and second factors are sealed with: `REHANG_SECRET`, which `npm start` makes on its
 * first run. Never a default: whoever knew it could make sessions.
 * @throws Error where it is missing or short.
 */
export function secret(): string {
  const given = process.env.REHANG_SECRET ?? '';
  if (given.length < 32)
    throw new Error(
      'REHANG_SECRET is not set, or is shorter than 32 characters. `npm start` makes one; set your own where the program is started in another way.',
    );
  return given;
}
