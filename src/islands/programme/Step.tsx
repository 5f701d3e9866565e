/** A step back or forth among what was done. */
interface Props {
  readonly word: string;
  /** What would be undone or done again; undefined where there is nothing. */
  readonly label: string | undefined;
  /** Whose steps they are, where the page has several: “ for the lifters”. */
  readonly of?: string;
  readonly onClick: () => void;
}

/** Keeps the focus when there is nothing more to be undone. */
export function Step({ word, label, of = '', onClick }: Props) {
  return (
    <button type="button" aria-disabled={label === undefined} title={label} onClick={onClick}>
      {word}
      <span class="unseen">{`${of}: ${label ?? 'nothing'}`}</span>
    </button>
  );
}
