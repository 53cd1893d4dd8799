interface ScriptPolicy {
  // In a browser that knows Trusted Types this is an object that only stands where a script address is wanted. The
  // library types know of neither, and a string is what the callers' parameters ask for.
  readonly createScriptURL: (address: string) => string;
}

declare global {
  var trustedTypes:
    | {
        readonly createPolicy: (
          name: string,
          rules: { readonly createScriptURL: (address: string) => string },
        ) => ScriptPolicy;
      }
    | undefined;
}

/** The server allows these names and no other, each once. */
type PolicyName = 'sw' | 'parser';

const made = new Map<PolicyName, { readonly address: string; readonly trusted: string }>();

/**
 * The address of a worker, marked as ours for browsers that refuse a plain string.
 *
 * @param address fixed when the app is built; one a policy
 * @throws Error when a second address is asked of the same policy
 */
export function scriptAddress(policy: PolicyName, address: string): string {
  const known = made.get(policy);
  if (known !== undefined) {
    if (known.address !== address) {
      throw new Error(`policy ${policy} vouches for ${known.address} only, got ${address}`);
    }
    return known.trusted;
  }
  const trusted =
    globalThis.trustedTypes
      ?.createPolicy(policy, { createScriptURL: (asked) => asked })
      .createScriptURL(address) ?? address;
  made.set(policy, { address, trusted });
  return trusted;
}
