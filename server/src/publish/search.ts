/**
 * Runs in the page: leaves of the lists what has all words that somebody types. Without it the lists are there in full.
 * The policy of the page names it by its hash, so nothing else runs; a test holds the hash to the text.
 */
export const SEARCH = `
const plain = text => text.normalize('NFD').replace(/\\p{M}/gu, '').toLowerCase();
const field = document.getElementById('search');
const found = document.getElementById('found');
const items = Array.from(document.querySelectorAll('li[data-words]'), item => (
  { item, words: plain(item.textContent + ' ' + item.dataset.words) }));
const search = () => {
  const asked = plain(field.value).split(/\\s+/).filter(word => word !== '');
  const left = items.filter(({ item, words }) => !(item.hidden = !asked.every(word => words.includes(word))));
  for (const list of document.querySelectorAll('section')) list.hidden = !list.querySelector('li:not([hidden])');
  found.textContent = asked.length === 0 ? '' : left.length === 0 ? 'Nothing found.' : left.length + ' found.';
};
field.addEventListener('input', search);
field.parentElement.hidden = false;
search();
`;

export const SEARCH_HASH = 'sha256-oSGCE74G2iHA8T2UkTtF/mgvzmZKHWbEZLzNBRc8Y8w=';
