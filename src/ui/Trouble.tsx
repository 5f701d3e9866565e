/** Something that failed: what, why, and a way to try it again. */

interface Props {
  /** “The numbers could not be worked out”. */
  readonly what: string;
  /** Nothing is shown where there is none. */
  readonly reason: string | null;
  readonly onRetry?: () => void;
}

export function Trouble({ what, reason, onRetry }: Props) {
  if (reason === null) return null;
  return (
    <div class="problem">
      <p>
        {what}: {reason}.
      </p>
      {onRetry && (
        <p class="buttons">
          <button type="button" onClick={onRetry}>
            Try again
          </button>
        </p>
      )}
    </div>
  );
}
