import { Field } from './field';

interface ChoiceProps {
  name: string;
  label: string;
  /** What is shown where nothing is chosen. */
  any: string;
  value: string | undefined;
  choices: (readonly [value: string, text: string])[];
}

/** One condition of a filter: any, or one of some. */
export function Choice({ name, label, any, value, choices }: ChoiceProps) {
  return (
    <Field label={label} id={name}>
      <select id={name} name={name} defaultValue={value ?? ''}>
        <option value="">{any}</option>
        {choices.map(([choice, text]) => (
          <option key={choice} value={choice}>
            {text}
          </option>
        ))}
      </select>
    </Field>
  );
}
