export { beyondChance, type Beyond, type Estimated } from './beyond-chance';
