/**
 * Marks that turn the direction of what follows, and the ends of lines that are no controls: part of a class of
 * characters in a regular expression.
 */
export const TURNING = '\\u061c\\u200e\\u200f\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069';
