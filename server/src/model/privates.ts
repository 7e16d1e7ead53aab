/** What of a journal is nobody else's business. */
export const privates = ['places', 'remarks', 'sources', 'people', 'photos'] as const;
export type Private = (typeof privates)[number];
