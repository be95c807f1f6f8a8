/**
 * The one way to name a script that is to be run. The page's security policy (`vite.config.ts`) refuses a worker by a
 * plain address, and knows this policy of Trusted Types only: what it lets through is a file of this app.
 */

type Policy = { readonly createScriptURL: (address: string) => string };

/** Of Chromium; other browsers have no Trusted Types, and there the address stays a string. */
declare const trustedTypes: { readonly createPolicy: (name: string, rules: Policy) => Policy } | undefined;

/** Named in the security policy of the build. */
const policyName = 'leesbook';

/** The folder that the page was served from; a static host may keep other people's files beside it. */
const inOwnFolder = (address: string): string => {
  const own = new URL('./', document.baseURI);
  const { href, origin, pathname } = new URL(address, own);
  if (origin !== own.origin || !pathname.startsWith(own.pathname))
    throw new TypeError(`not a script of this app: ${address}`);
  return href;
};

const rules: Policy = { createScriptURL: inOwnFolder };
const policy = typeof trustedTypes === 'undefined' ? rules : trustedTypes.createPolicy(policyName, rules);

/**
 * @param address of a worker or service worker, against the page
 * @returns the address whole, for `new Worker`; in Chromium it is a TrustedScriptURL, which stands for a string
 * @throws TypeError where it leads out of this app
 */
export const ownScript = (address: string): string => policy.createScriptURL(address);
