/** Who can sign in: the tables of the sign-in library and what the shop adds to them. */
export { signInTables } from './sign-in-tables';
export { hasAccounts } from './has-accounts';
export { sessionHolder } from './session-holder';
export { listPeopleAccounts } from './people-accounts';
export { makeFirstManager, type FirstManager } from './first-manager';
export { invite, INVITATION_MS, openInvitation, takeUpInvitation } from './invitations';
export { setCredentials, SignInNameTaken, type Credentials } from './credentials';
export { endSessions, sessionsOf } from './sessions';
export { countAttempt, forgetAttempts, secondsToWait, type Limit } from './attempts';
export { demoSignInNames, openDemo } from './demo-sign-in-names';
