/** What the tests use of the library of Frictionless Data, which has no types of its own. */
declare module 'datapackage' {
  interface Resource {
    readonly name: string;
    readonly valid: boolean;
    readonly tabular: boolean;
    /** Rejects where a cell is not of the type of its column, or breaks a constraint. */
    read(options: { readonly keyed: true; readonly relations: true }): Promise<Record<string, unknown>[]>;
    /** Rejects where a row refers to none. */
    checkRelations(): Promise<boolean>;
  }

  export class Package {
    static load(
      descriptor: object, options: { readonly basePath: string; readonly strict: boolean },
    ): Promise<Package>;
    readonly valid: boolean;
    readonly errors: readonly Error[];
    readonly resources: readonly Resource[];
  }
}
