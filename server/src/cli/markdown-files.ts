import path from 'node:path';
import { lotPicture } from '../features/drawing/pictures.ts';
import type { Lot } from '../journal/life.ts';
import { themes } from '../pictures/theme.ts';
import { FileNames, fileWord } from '../report/file-names.ts';
import { reportMarkdown } from '../report/markdown.ts';
import type { Report } from '../report/report.ts';
import type { FileToWrite } from './written.ts';

const WIDTH = 720;

/** A report as Markdown, and the pictures of its lots as files beside it that have its name and theirs. */
export function markdownFiles(output: string, reports: readonly Report[]): FileToWrite[] {
  const { dir, name } = path.parse(output);
  const pictures = new Map<Lot, FileToWrite>();
  const names = new FileNames();
  for (const { lot, trial } of reports.flatMap(({ lots, plants }) => (plants ? [] : lots))) {
    const picture = lotPicture(trial, { theme: themes.light, width: WIDTH, small: false, id: 'picture' });
    if (!picture) continue;
    const file = `${names.of(`${name}-${fileWord(lot.id)}`)}.svg`;
    pictures.set(lot, { path: path.join(dir, file), content: `${picture.svg.markup}\n`, kind: 'svg' });
  }
  const pictureOf = (lot: Lot): string | undefined => {
    const picture = pictures.get(lot);
    return picture && encodeURIComponent(path.basename(picture.path));
  };
  return [{ path: output, content: reportMarkdown(reports, { pictureOf }), kind: 'md' }, ...pictures.values()];
}
