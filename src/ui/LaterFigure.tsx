/** A figure whose drawing code is fetched only when one is shown. */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Figure } from '../figures/figure.ts';

type View = ComponentType<{ readonly figure: Figure }>;

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
  return view ? <view.View figure={figure} /> : <p class="small">{figure.caption}</p>;
}
