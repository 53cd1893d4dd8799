import { ChoiceField, NumberField, TextField } from '../../kit/Ground.tsx';
import type { FieldForm } from './fieldForms.ts';

/** The input that suits a field's form. What was typed stays as typed, fault or not. */
export function FieldInput(props: {
  readonly form: FieldForm;
  readonly label: string;
  readonly typed: string;
  readonly onTyped: (typed: string) => void;
  readonly fault: string | null;
  /** Known values to choose from where the schema alone does not say: cards, panels, samples. */
  readonly choices?: readonly string[] | undefined;
}) {
  const { form, choices } = props;
  const common = {
    act: `field-${form.path}`,
    label: form.isRequired ? `${props.label} (needed)` : props.label,
    value: props.typed,
    onChange: props.onTyped,
    fault: props.fault,
  };
  const given = form.form === 'choice' ? form.choices : choices;
  if (form.form === 'yesNo' || given !== undefined) {
    const words = form.form === 'yesNo' ? ['yes', 'no'] : (given ?? []);
    const known =
      props.typed === '' || words.includes(props.typed) ? words : [...words, props.typed];
    return (
      <ChoiceField
        {...common}
        choices={[
          { value: '', label: 'not said' },
          ...known.map((word) => ({ value: word, label: choiceWords(word) })),
        ]}
      />
    );
  }
  switch (form.form) {
    case 'number':
      return <NumberField {...common} />;
    case 'longWords':
    case 'findings':
      return <TextField {...common} long />;
    case 'list':
    case 'numbers':
      return <TextField {...common} hint="parted by spaces" />;
    case 'measure':
      return <TextField {...common} hint="number and unit, as 4100 ft" />;
    case 'time':
      return <TextField {...common} hint="HH:MM:SS, UTC; a date may stand before it" />;
    default:
      return <TextField {...common} />;
  }
}

function choiceWords(word: string): string {
  return word.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase() === word.toLowerCase()
    ? word
    : word.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
}
