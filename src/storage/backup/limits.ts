/**
 * How much a backup may hold. Each is well over ten years of a busy workshop (100,000 entries, 2,000 photos) and well under
 * what a made-up file could ask of a phone. Status of all: reasoned.
 */

/** Bytes. A zip without its 64-bit extension ends here. Source: APPNOTE.TXT 6.3.10, 4.4.8 and 4.4.9. Status: memory. */
export const mostArchiveBytes = 2 ** 32 - 1;

/** Also without that extension: 65,535 names in all. Status: memory. */
export const mostFiles = 65_000;

/** A hundred thousand entries take about 80 MB as text; it is held in memory once, as bytes. */
export const mostTextBytes = 256 * 1024 * 1024;

export const mostEntries = 1_000_000;

/** A device counts its own entries; what it lacks is counted too, and sums of these stay exact. */
export const mostCounter = 1_000_000_000;

/** Characters. A drawn signature, the longest there is in an entry, takes some tens of thousands. */
export const longestLine = 1024 * 1024;

/** Objects within objects. An entry goes six or seven deep. */
export const deepest = 32;

/** A paper that came as a file has at most 20 MB, a photo less. */
export const mostFileBytes = 64 * 1024 * 1024;

/** The manifest names each file in some 130 bytes. */
export const mostManifestBytes = 32 * 1024 * 1024;

/** How far a part may swell. Entries shrink to a sixth or an eighth: hashes do not shrink at all. */
export const mostSwelling = 200;
