/** Whether a statement changes nothing, by how it begins. */
export const onlyReads = ({ sql }: { sql: string }): boolean => /^\s*SELECT\b/i.test(sql);
