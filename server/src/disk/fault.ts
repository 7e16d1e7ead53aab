/** What went wrong on the disk, in words for the grower. */
export class DiskFault extends Error {
  override readonly name = 'DiskFault';

  /** `message` ends a sentence that begins with the path; `gone`: nothing has this path. */
  constructor(readonly path: string, message: string, readonly gone = false, options?: ErrorOptions) {
    super(message, options);
  }
}

/** The fault behind an error of `node:fs`; `doing` is what could not be done. */
export function faultOf(path: string, error: unknown, doing: 'read' | 'written' = 'read'): DiskFault {
  if (error instanceof DiskFault) return error;
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return new DiskFault(path, reasonOf(code, error, doing), code === 'ENOENT' || code === 'ENOTDIR', { cause: error });
}

function reasonOf(code: unknown, error: unknown, doing: string): string {
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR': return 'there is no such file or folder';
    case 'EACCES':
    case 'EPERM': return 'permission is denied';
    case 'ELOOP': return 'its symbolic links form a loop';
    case 'EROFS': return 'the disk is read-only';
    case 'ENOSPC':
    case 'EDQUOT': return 'the disk is full';
    case 'EIO': return `it cannot be ${doing}, because of a disk error`;
    case 'EFBIG': return 'it is larger than a file may be here';
    case 'EBUSY':
    case 'ETXTBSY': return `it cannot be ${doing}, because something else is using it`;
    case 'ENAMETOOLONG': return 'its name is too long';
    case 'EISDIR': return 'it is a folder';
    case 'EMFILE':
    case 'ENFILE': return `it cannot be ${doing}, because too many files are open`;
    default: return `it cannot be ${doing} (${error instanceof Error ? error.message : String(error)})`;
  }
}
