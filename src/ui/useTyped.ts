/** An entry that is taken when it is left, and keeps what is being typed until then, whatever is laid out anew meanwhile. */
import { useState } from 'preact/hooks';

type Typing = { readonly currentTarget: HTMLInputElement };

/**
 * @param value what the entry holds while nothing is being typed
 * @param onEnter takes what was typed, once its field is left or Enter is pressed
 * @returns properties of the field
 */
export function useTyped(value: string | number, onEnter: (written: string) => void) {
  const [typed, setTyped] = useState<string | null>(null);
  return {
    value: typed ?? value,
    onInput: ({ currentTarget }: Typing) => setTyped(currentTarget.value),
    onChange: ({ currentTarget }: Typing) => {
      setTyped(null);
      onEnter(currentTarget.value);
    },
    onBlur: () => setTyped(null),
  };
}
