export { benjaminiHochberg } from './benjamini-hochberg';
