export { digitPreference, type DigitPreference } from './digit-preference';
