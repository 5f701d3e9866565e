/**
 * The name of an exercise, typed freely or picked from what the list has for it: an editable combobox with a
 * list (WAI-ARIA Authoring Practices Guide 1.2, combobox pattern). A browser's own list of suggestions
 * searches by the beginning of a name or not at all, and never by synonyms.
 */
import { useState } from 'preact/hooks';
import type { NamedExercise } from '../../evidence/exerciseNames.ts';
import { searchExercises } from '../../evidence/searchExercises.ts';

interface Props {
  readonly id: string;
  readonly value: string;
  readonly exercises: readonly NamedExercise[];
  readonly isWrong: boolean;
  readonly describedBy: string;
  readonly onChange: (name: string) => void;
}

/** Names that can be looked over at once; typing on finds the others. */
const MOST_OFFERED = 8;

export function ExercisePick({ id, value, exercises, isWrong, describedBy, onChange }: Props) {
  const [isOpen, setOpen] = useState(false);
  /** Place of the name that the keys have gone to; null while only typed. */
  const [active, setActive] = useState<number | null>(null);
  const found = isOpen ? searchExercises(exercises, value) : [];
  const offered = found.slice(0, MOST_OFFERED);
  const isShown = isOpen && offered.length > 0;
  const close = () => {
    setOpen(false);
    setActive(null);
  };
  const pick = (place: number) => {
    onChange(offered[place].exercise.name);
    close();
  };
  const press = (event: KeyboardEvent) => {
    const { key, altKey, ctrlKey, metaKey } = event;
    if (ctrlKey || metaKey || altKey) return;
    if ((key === 'ArrowDown' || key === 'ArrowUp') && !isShown) {
      setOpen(true);
      event.preventDefault();
    } else if (key === 'ArrowDown' || key === 'ArrowUp') {
      const last = offered.length - 1;
      const next = key === 'ArrowDown' ? (active ?? -1) + 1 : (active ?? offered.length) - 1;
      setActive(next > last ? 0 : next < 0 ? last : next);
      event.preventDefault();
    } else if (key === 'Enter' && isShown && active !== null) {
      pick(active);
      event.preventDefault();
    } else if (key === 'Escape' && isShown) {
      close();
      event.preventDefault();
      event.stopPropagation();
    }
  };
  return (
    <span class="pick">
      <input
        id={id}
        type="text"
        role="combobox"
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        aria-autocomplete="list"
        aria-expanded={isShown}
        aria-controls={`${id}-list`}
        aria-activedescendant={isShown && active !== null ? `${id}-option-${active}` : undefined}
        aria-invalid={isWrong}
        aria-describedby={describedBy}
        value={value}
        onInput={(event) => {
          onChange(event.currentTarget.value);
          setOpen(true);
          setActive(null);
        }}
        onClick={() => setOpen(true)}
        onKeyDown={press}
        onBlur={close}
      />
      <div id={`${id}-list`} role="listbox" aria-label="Exercises" hidden={!isShown}>
        {offered.map(({ exercise, synonym }, i) => (
          <div
            key={exercise.name}
            id={`${id}-option-${i}`}
            role="option"
            tabIndex={-1}
            aria-selected={i === active}
            // Before the entry loses the focus, which closes the list.
            onMouseDown={(event) => {
              event.preventDefault();
              pick(i);
            }}
          >
            {exercise.name}
            {synonym !== null && <span class="small"> also {synonym}</span>}
          </div>
        ))}
      </div>
      <span class="unseen" role="status">
        {isShown && `${offered.length} of ${found.length} exercises; arrow keys choose.`}
      </span>
    </span>
  );
}
