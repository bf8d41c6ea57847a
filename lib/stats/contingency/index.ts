export { fisherUpper } from './fisher-exact';
