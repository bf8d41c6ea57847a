/**
 * Nothing of ours is refused in this way: strangers are led to sign in. The framework's own page of this kind would be
 * written into the payload of every page.
 */
export default function Unauthorized() {
  return null;
}
