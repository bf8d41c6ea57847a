/** A habit in the words that pages and prints show. */
export interface HabitText {
  name: string;
  what: string;
  /** How it shows in readings. */
  shows: string;
  /** How to train it. */
  train: string;
  /** What else could look the same. */
  lookalikes: string;
}
