/** Reads pictures back: their elements, and where these stand. */
import { defaultTreeAdapter, parseFragment, type DefaultTreeAdapterMap } from 'parse5';
import { textWidth } from '../../server/src/pictures/text-size.ts';
import type { Picture } from '../../server/src/pictures/picture.ts';


export interface Shape {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

/** All elements of a picture but those in <defs>, in their order. */
export function shapesOf({ svg }: Pick<Picture, 'svg'>): Shape[] {
  const shapes: Shape[] = [];
  const visit = (node: DefaultTreeAdapterMap['node']): void => {
    if (defaultTreeAdapter.isElementNode(node)) {
      if (node.tagName === 'defs') return;
      const own = node.childNodes.filter(child => defaultTreeAdapter.isTextNode(child));
      shapes.push({
        name: node.tagName,
        attributes: Object.fromEntries(node.attrs.map(({ name, value }) => [name, value])),
        text: own.map(({ value }) => value).join(''),
      });
    }
    for (const child of 'childNodes' in node ? node.childNodes : []) visit(child);
  };
  visit(parseFragment(svg.markup));
  return shapes;
}

export function withClass(picture: Pick<Picture, 'svg'>, name: string): Shape[] {
  return shapesOf(picture).filter(({ attributes }) => attributes.class === name);
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly what: string;
}

/** The room of each text by the widths that the pictures themselves reckon with, which are on the safe side. */
export function textBoxes(picture: Pick<Picture, 'svg'>): Box[] {
  return shapesOf(picture)
    .filter(({ name, text }) => name === 'text' && text !== '')
    .map(({ attributes, text }) => {
      const size = Number(attributes['font-size'] ?? 12);
      const width = textWidth(text, size, attributes['font-weight'] === 'bold' ? 'bold' : undefined);
      const x = Number(attributes.x);
      const y = Number(attributes.y);
      const left =
        attributes['text-anchor'] === 'middle' ? x - width / 2 : attributes['text-anchor'] === 'end' ? x - width : x;
      return { left, right: left + width, top: y - 0.75 * size, bottom: y + 0.2 * size, what: text };
    });
}

/** Pairs of texts that cover each other. */
export function collisions(boxes: readonly Box[]): string[] {
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter(b => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map(b => `${a.what} | ${b.what}`),
  );
}

/** Marks and texts that stick out of the picture. */
export function outside(picture: Picture): string[] {
  const { width, height } = picture;
  const beyond = textBoxes(picture)
    .filter(({ left, right, top, bottom }) => left < 0 || right > width + 0.5 || top < 0 || bottom > height)
    .map(({ what }) => what);
  const marks = shapesOf(picture).flatMap(shape =>
    pointsOf(shape)
      .filter(([x, y]) => !(x >= 0 && x <= width && y >= 0 && y <= height))
      .map(([x, y]) => `${shape.name} ${shape.attributes.class ?? ''} at ${x}, ${y}`),
  );
  return [...beyond, ...marks];
}

/** The corners of lines and boxes, the points of paths of M, H, V, L and Z, and the middles of what is moved. */
export function pointsOf({ name, attributes }: Shape): [number, number][] {
  const number = (key: string) => Number(attributes[key]);
  if (attributes.transform !== undefined) {
    const [, x, y] = /translate\(([^,]+),([^)]+)\)/.exec(attributes.transform)!;
    return [[Number(x), Number(y)]];
  }
  switch (name) {
    case 'line':
      return [
        [number('x1'), number('y1')],
        [number('x2'), number('y2')],
      ];
    case 'rect': {
      const [x, y] = [Number(attributes.x ?? 0), Number(attributes.y ?? 0)];
      return [
        [x, y],
        [x + number('width'), y + number('height')],
      ];
    }
    case 'circle':
      return [[number('cx'), number('cy')]];
    case 'path':
      return pathPoints(attributes.d ?? '');
    default:
      return [];
  }
}

export function pathPoints(d: string): [number, number][] {
  let [x, y] = [0, 0];
  const points: [number, number][] = [];
  for (const [, command, given] of d.matchAll(/([MLHVhZ])([^MLHVhZ]*)/g)) {
    const numbers = given!
      .split(/[\s,]+/)
      .filter(part => part !== '')
      .map(Number);
    switch (command) {
      case 'M':
      case 'L':
        [x, y] = [numbers[0]!, numbers[1]!];
        break;
      case 'H':
        x = numbers[0]!;
        break;
      case 'h':
        x += numbers[0]!;
        break;
      case 'V':
        y = numbers[0]!;
        break;
      default:
        continue;
    }
    points.push([x, y]);
  }
  return points;
}
