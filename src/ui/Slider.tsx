/** A number on a scale, with its value written beside it. */
import { formatPlain } from '../figures/format.ts';

interface SliderProps {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  readonly unit: string;
  readonly help: string;
  readonly onChange: (value: number) => void;
}

export function Slider({ id, label, value, min, max, step = 1, unit, help, onChange }: SliderProps) {
  const shown = formatPlain(value);
  return (
    <div class="control">
      <label for={id}>
        {label}:{' '}
        <span class="value">
          {shown} {unit}
        </span>
      </label>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        onInput={(event) => onChange(event.currentTarget.valueAsNumber)}
        aria-valuetext={`${shown} ${unit}`}
        aria-describedby={`${id}-help`}
      />
      <span class="help" id={`${id}-help`}>
        {help}
      </span>
    </div>
  );
}
