/** The statistics engine: plain numbers in, plain objects out. Each line is one room; see its docstrings. */
export * from './intervals';
export * from './rates';
export * from './distributions';
export * from './anova';
export * from './collapse';
export * from './conformity';
export * from './control';
export * from './digits';
export * from './multiplicity';
export * from './outliers';
export * from './planning';
export * from './robust';
export * from './variance-components';
export * from './change-point';
export * from './logistic';
export * from './regression';
export * from './crossed-trial';
