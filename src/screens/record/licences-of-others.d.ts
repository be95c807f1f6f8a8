/** Made when the app is built, of what its packages say of themselves. */
declare module 'virtual:licences' {
  export const licences: readonly {
    readonly name: string;
    readonly version: string;
    /** As the list of SPDX names it. */
    readonly licence: string;
    readonly text: string;
  }[];
}
