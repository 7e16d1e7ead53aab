// Runs in the panel of pictures: puts in what the extension sends, and leads by keyboard and pointer. Its messages are
// those of client/src/panel/messages.ts. A script as it stands here needs no bundler.
const editor = acquireVsCodeApi();
const main = document.querySelector('main');
const said = document.querySelector('#said');
const tabs = [...document.querySelectorAll('[role=tab]')];
const colours = new CSSStyleSheet();
document.adoptedStyleSheets = [colours];

let view = editor.getState()?.view ?? document.body.dataset.view;
let shown = '';
/** Pictures by their address: kept, so that none is loaded and drawn anew while somebody types. */
let pictures = new Map();
/** Addresses at which there is no picture. */
const broken = new Set();

const marks = () => [...main.querySelectorAll('[data-way]')];
const markOf = target => (target instanceof Element ? target.closest('[data-way]') : null);

function ask() {
  editor.postMessage({ type: 'show', view, width: main.clientWidth, height: window.innerHeight });
}

/** One of each row is reached by Tab, the others from it by the arrows. */
function choose(row, one) {
  for (const each of row) each.setAttribute('tabindex', each === one ? '0' : '-1');
}

function select() {
  for (const tab of tabs) tab.setAttribute('aria-selected', String(tab.dataset.view === view));
  choose(tabs, tabs.find(tab => tab.dataset.view === view));
}

/** Focus, scrolling and what was unfolded stay as they were. */
function put(html) {
  if (html === shown) return;
  shown = html;
  const at = marks().indexOf(document.activeElement);
  const way = document.activeElement?.dataset?.way;
  const open = [...main.querySelectorAll('details')].map(each => each.open);
  const summary = [...main.querySelectorAll('summary')].indexOf(document.activeElement);
  const { scrollY } = window;
  main.innerHTML = html;
  for (const [i, each] of [...main.querySelectorAll('details')].entries()) each.open = open[i] ?? false;
  const after = marks();
  const again = after[at]?.dataset.way === way ? after[at] : after.find(mark => mark.dataset.way === way);
  choose(after, again ?? after[0]);
  if (at >= 0) (again ?? after[0])?.focus({ preventScroll: true });
  if (summary >= 0) main.querySelectorAll('summary')[summary]?.focus({ preventScroll: true });
  window.scrollTo(0, scrollY);
}

/** Each photo above its day; where it cannot be shown, its name stands there. */
function putPhotos(addresses) {
  const kept = new Map();
  for (const place of main.querySelectorAll('[data-photo]')) {
    const address = addresses[Number(place.dataset.photo)];
    const old = place.querySelector('img');
    if (old && old.getAttribute('src') !== address) old.remove();
    if (!address || broken.has(address)) continue;
    const picture = place.querySelector('img') ?? (kept.has(address) ? undefined : pictures.get(address)) ?? pictureAt(address);
    picture.alt = place.getAttribute('aria-label');
    if (picture.parentElement !== place) place.prepend(picture);
    kept.set(address, picture);
  }
  pictures = kept;
}

function pictureAt(address) {
  const picture = new Image();
  picture.loading = 'lazy';
  picture.addEventListener('error', () => {
    broken.add(address);
    picture.remove();
  });
  picture.src = address;
  return picture;
}

function next(key, row, at) {
  switch (key) {
    case 'ArrowRight': case 'ArrowDown': return row[(at + 1) % row.length];
    case 'ArrowLeft': case 'ArrowUp': return row[(at + row.length - 1) % row.length];
    case 'Home': return row[0];
    case 'End': return row.at(-1);
    default: return undefined;
  }
}

function go(mark) {
  if (mark) editor.postMessage({ type: 'go', way: mark.dataset.way });
}

const wordsOf = mark => mark?.querySelector('title')?.textContent ?? mark?.getAttribute('aria-label') ?? '';

function say({ target }) {
  said.textContent = wordsOf(markOf(target));
}

function turnTo(tab) {
  ({ view } = tab.dataset);
  select();
  ask();
}

/** Two notes, twice. */
const NOTES = [[660, 0], [880, 0.25], [660, 0.8], [880, 1.05]];
let audio;

/** Until somebody has pressed a key or clicked in the window, no page may be heard: it plays then. */
async function ring() {
  audio ??= new AudioContext();
  if (audio.state !== 'running') await audio.resume();
  for (const [pitch, after] of NOTES) {
    const note = new OscillatorNode(audio, { frequency: pitch });
    const loudness = new GainNode(audio, { gain: 0.2 });
    note.connect(loudness).connect(audio.destination);
    note.start(audio.currentTime + after);
    note.stop(audio.currentTime + after + 0.2);
  }
}

window.addEventListener('message', ({ data }) => {
  if (data.ring) {
    void ring();
    return;
  }
  editor.setState(data.state);
  ({ view } = data.state);
  colours.replaceSync(data.colours);
  select();
  put(data.html);
  putPhotos(data.photos);
});
for (const tab of tabs) tab.addEventListener('click', () => turnTo(tab));
document.addEventListener('keydown', event => {
  const mark = markOf(event.target);
  const row = mark ? marks() : tabs;
  const at = row.indexOf(mark ?? event.target);
  if (at < 0) return;
  if (mark && (event.key === 'Enter' || event.key === ' ')) {
    event.preventDefault();
    go(mark);
    return;
  }
  const to = next(event.key, row, at);
  if (!to) return;
  event.preventDefault();
  choose(row, to);
  to.focus();
  if (!mark) turnTo(to);
});
main.addEventListener('click', ({ target }) => go(markOf(target)));
main.addEventListener('focusin', say);
main.addEventListener('mouseover', say);
window.addEventListener('resize', ask);
select();
ask();
