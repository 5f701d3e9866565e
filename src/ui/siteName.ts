export const SITE_NAME = 'Shy of Failure';
