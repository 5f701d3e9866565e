/** A figure whose drawing code is fetched only when one is shown. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Figure } from '../figures/figure.ts';

type View = ComponentType<{ readonly figure: Figure; readonly heading?: 'h3' }>;

export function LaterFigure({ figure }: { readonly figure: Figure }) {
  const [view, setView] = useState<{ readonly View: View } | null>(null);
  useEffect(() => {
    let wanted = true;
    void import('./FigureView.tsx').then(({ FigureView }) => {
      if (wanted) setView({ View: FigureView });
    });
    return () => {
      wanted = false;
    };
  }, []);
  return view ? <view.View figure={figure} heading="h3" /> : <p class="small">{figure.caption}</p>;
}
