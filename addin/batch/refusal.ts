/** Why nothing was computed, in a sentence for whoever started the batch; other errors are faults of ours. */
export class Refusal extends Error {}
