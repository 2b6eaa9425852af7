/** An answer of the platform that is not what was asked for: `{message, code, errors?}` with a status. */
export class Refusal extends Error {
  readonly status: number;
  readonly code: number;
  readonly faults: readonly string[];

  constructor(status: number, code: number, message: string, faults: readonly string[] = []) {
    super(message);
    this.status = status;
    this.code = code;
    this.faults = faults;
  }

  body(): unknown {
    const errors = this.faults.length > 0 ? { errors: { _errors: this.faults.map(asError) } } : {};
    return { message: this.message, code: this.code, ...errors };
  }
}

const asError = (message: string) => ({ code: 'INVALID', message });

export const refuse = {
  unknownInteraction: () => new Refusal(404, 10062, 'Unknown interaction'),
  alreadyAcknowledged: () => new Refusal(400, 40060, 'Interaction has already been acknowledged.'),
  unknownWebhook: () => new Refusal(404, 10015, 'Unknown Webhook'),
  tokenIsOver: () => new Refusal(401, 50027, 'Invalid Webhook Token'),
  unknownMessage: () => new Refusal(404, 10008, 'Unknown Message'),
  unknownChannel: () => new Refusal(404, 10003, 'Unknown Channel'),
  closedDirect: () => new Refusal(403, 50007, 'Cannot send messages to this user'),
  missingAccess: () => new Refusal(403, 50001, 'Missing Access'),
  unknownCommand: () => new Refusal(404, 10063, 'Unknown application command'),
  unauthorized: () => new Refusal(401, 0, '401: Unauthorized'),
  notFound: () => new Refusal(404, 0, '404: Not Found'),
  form: (faults: readonly string[]) => new Refusal(400, 50035, 'Invalid Form Body', faults),
} as const;

/** Where broken rules are written down. */
export interface Court {
  readonly violations: readonly string[];
  /** Notes a broken rule. */
  note(what: string): void;
  /** Notes what the platform refuses, and refuses it. */
  demand(what: string, faults: readonly string[]): void;
}

export function openCourt(): Court {
  const violations: string[] = [];
  const note = (what: string) => {
    violations.push(what);
  };
  return {
    violations,
    note,
    demand(what, faults) {
      for (const fault of faults) note(`${what}: ${fault}`);
      if (faults.length > 0) throw refuse.form(faults);
    },
  };
}
