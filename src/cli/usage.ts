// The two ways in which the command line fails, told apart by their exit codes.

/** Wrong use of the command line: exit 2. */
export class UsageError extends Error {}

/** A file that could not be read or is wrong: exit 1. */
export class FileError extends Error {}
