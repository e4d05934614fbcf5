// The first words to somebody new.

export const FIRST_VISIT = "How long does roof rain carry the beds? This is a made-up place.";
