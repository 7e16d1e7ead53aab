// A file system that exists in memory alone, as those of virtual workspaces do: no disk, no search, no watching.
// What is in it at first comes as files.json from where the extension comes from.
const { EventEmitter, Disposable, FileChangeType, FileSystemError, FileType, Uri, workspace } = require('vscode');

exports.activate = async function activate({ extensionUri, subscriptions }) {
  const response = await fetch(Uri.joinPath(extensionUri, 'files.json').toString(true));
  const files = new Map(Object.entries(await response.json()).map(
    ([name, text]) => [`/journal/${name}`, new TextEncoder().encode(text)]));
  const changed = new EventEmitter();
  const children = folder => new Map([...files.keys()].filter(name => name.startsWith(`${folder}/`)).map(name => {
    const [child, ...below] = name.slice(folder.length + 1).split('/');
    return [child, below.length ? FileType.Directory : FileType.File];
  }));
  const found = ({ path }, value) => {
    if (value === undefined) throw FileSystemError.FileNotFound(path);
    return value;
  };
  const refused = ({ path }) => {
    throw FileSystemError.NoPermissions(path);
  };
  subscriptions.push(workspace.registerFileSystemProvider('memory', {
    onDidChangeFile: changed.event,
    watch: () => new Disposable(() => {}),
    stat(uri) {
      const content = files.get(uri.path);
      if (content) return { type: FileType.File, ctime: 0, mtime: 0, size: content.length };
      found(uri, children(uri.path).size || undefined);
      return { type: FileType.Directory, ctime: 0, mtime: 0, size: 0 };
    },
    readDirectory: uri => [...children(uri.path)],
    readFile: uri => found(uri, files.get(uri.path)),
    writeFile(uri, content) {
      files.set(uri.path, content);
      changed.fire([{ type: FileChangeType.Changed, uri }]);
    },
    createDirectory: refused,
    delete: refused,
    rename: refused,
  }));
};
