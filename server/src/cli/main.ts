/** Entry of the command line `plumule`. */
import { endWithOutput } from './output.ts';

const given = process.argv.slice(2);

endWithOutput();
// What an editor starts again and again needs no reader of options.
if (given.join(' ') === 'serve --stdio') void import('../main.node.ts');
else void import('./run.ts').then(({ run }) => run(given));
