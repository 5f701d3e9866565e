/**
 * Text to be taken over as it stands, with a button that copies it where the browser can: on a built page by
 * copyButtons.ts, in an island by what it is given.
 */
interface Props {
  readonly name: string;
  readonly text: string;
  readonly id: string;
  /** For long ones, which a reader opens. */
  readonly folded?: boolean;
  /** Address in the text that lacks the host, where the build did not know it; a browser completes it. */
  readonly incomplete?: string | undefined;
  /** Copies the text of the element of that id. */
  readonly onCopy?: (id: string) => void;
}

export function CopyText({ name, text, id, folded = false, incomplete, onCopy }: Props) {
  const block = (
    <pre id={id} {...(incomplete === undefined ? {} : { 'data-incomplete': incomplete })}>
      {text}
    </pre>
  );
  return (
    <div class="copy">
      <div class="copy-head">
        <h3 id={`${id}-name`}>{name}</h3>
        <button
          type="button"
          class="copy-button"
          {...(onCopy ? { onClick: () => onCopy(id) } : { 'data-copy': id, hidden: true })}
        >
          Copy<span class="unseen"> {name}</span>
        </button>
      </div>
      {folded ? (
        <details>
          <summary>Show {name}</summary>
          {block}
        </details>
      ) : (
        block
      )}
    </div>
  );
}
