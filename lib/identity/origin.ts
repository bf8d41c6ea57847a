/**
 * Where browsers find the program: `REHANG_ORIGIN` (`https://…` behind a proxy), else this machine. With https
 * session cookies are sent over https only.
 */
export function origin(): string {
  const given = process.env.REHANG_ORIGIN;
  return given !== undefined && URL.canParse(given)
    ? new URL(given).origin
    : `http://localhost:${process.env.PORT ?? '3000'}`;
}
