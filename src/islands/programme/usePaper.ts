/** Whether the page is laid out to be read only. */
import { useEffect, useState } from 'preact/hooks';

/**
 * True as the page is built, for those who have no JavaScript, and while it is printed. On the screen the
 * same lines stand in the editor: a second table of them would cost time at every key.
 *
 * @param atFirst as the page is built
 */
export function usePaper(atFirst = true): boolean {
  const [isPaper, setPaper] = useState(atFirst);
  useEffect(() => {
    const paper = matchMedia('print');
    const follow = () => setPaper(paper.matches);
    const before = () => setPaper(true);
    follow();
    paper.addEventListener('change', follow);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', follow);
    return () => {
      paper.removeEventListener('change', follow);
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', follow);
    };
  }, []);
  return isPaper;
}
