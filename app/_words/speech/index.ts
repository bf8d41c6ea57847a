/** In which language and units a reader is spoken to. */
export { answering, hear } from './hear';
export { speaking, speech } from './heard';
export {
  LANGUAGES,
  localeOf,
  PLAIN,
  speechFrom,
  UNITS,
  type Language,
  type Speech,
  type Units,
} from './speech';
