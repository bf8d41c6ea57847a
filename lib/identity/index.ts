/** Who somebody is: sign-in, second factor, invitations. What they may have is said in lib/access. */
export { changePassword, confirmSecondFactor, dropSecondFactor, offerSecondFactor } from './second-factor';
export type { SecondFactorOffer } from './second-factor';
export { hashPassword, LONGEST_PASSWORD, passwordFault, SHORTEST_PASSWORD } from './password';
export { isSetUpKey, setUpKey } from './set-up-key';
export { confirmCode, signIn, signOut, type SignInAnswer } from './sign-in';
export { isSignInName, LONGEST_NAME, SHORTEST_NAME, signInNameOf } from './sign-in-name';
export { hasAccounts } from '@/lib/store/accounts';
export { viewerOf, type Viewer } from './viewer';
export { origin } from './origin';
export { LIMITS } from './limits';
export { chooseCredentials } from './choose-credentials';
export { pendingSecondFactor } from './pending-second-factor';
export { makeFirstManager, openInvitation, SignInNameTaken, takeUpInvitation } from '@/lib/store/accounts';
