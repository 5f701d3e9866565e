/** Icons for systems that install the site. */
import type { APIRoute } from 'astro';
import { drawIcon, ICONS } from '../../site/icons.ts';

interface Props {
  readonly icon: (typeof ICONS)[number];
}

export function getStaticPaths() {
  return ICONS.map((icon) => ({ params: { name: icon.name }, props: { icon } }));
}

export const GET: APIRoute<Props> = ({ props: { icon } }) =>
  new Response(new Uint8Array(drawIcon(icon)), { headers: { 'content-type': 'image/png' } });
