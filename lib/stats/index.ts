/** The statistics engine: plain numbers in, plain objects out. Each line is one room; see its docstrings. */
export * from './intervals';
export * from './rates';
export * from './distributions';
