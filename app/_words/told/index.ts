export { told } from './told';
