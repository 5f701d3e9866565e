/** Lets pages say `client:apart` of an island: src/ui/apart.ts says what it does. */
import type { AstroIntegration } from 'astro';

declare module 'astro' {
  interface AstroClientDirectives {
    'client:apart'?: boolean;
  }
}

export function startApart(): AstroIntegration {
  return {
    name: 'start-apart',
    hooks: {
      'astro:config:setup': ({ addClientDirective }) => {
        addClientDirective({ name: 'apart', entrypoint: './src/ui/apart.ts' });
      },
    },
  };
}
