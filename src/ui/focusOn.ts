/**
 * Puts the focus on what has the id, once the change that was just made stands on the page, and before the page hears of any
 * key pressed after it: what one types in a hurry goes where it is meant to. Nothing where no such thing comes to be.
 */
export function focusOn(id: string): void {
  const isFound = () => {
    const element = document.getElementById(id);
    element?.focus();
    return element !== null;
  };
  // A change is drawn in a microtask of its own, which stands in the queue by the time that the first of these is over.
  const drawn = Promise.resolve().then(() => undefined);
  void drawn.then(() => {
    if (!isFound()) setTimeout(isFound);
  });
}
