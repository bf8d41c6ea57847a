const USUAL = 50;
const MOST = 200;

/** Rows to skip and to take. A page before the first is the first; a page size is between 1 and 200. */
export function paging(query: { page?: number | undefined; pageSize?: number | undefined }): {
  skip: number;
  take: number;
} {
  const take = Math.min(MOST, Math.max(1, Math.trunc(query.pageSize ?? USUAL) || USUAL));
  const page = Math.max(1, Math.trunc(query.page ?? 1) || 1);
  return { skip: (page - 1) * take, take };
}
