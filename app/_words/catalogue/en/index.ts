import account from './account.json';
import bay from './bay.json';
import calibration from './calibration.json';
import cautions from './cautions.json';
import evidence from './evidence.json';
import figures from './figures.json';
import gauges from './gauges.json';
import habits from './habits.json';
import hand from './hand.json';
import invitation from './invitation.json';
import jobList from './job-list.json';
import jobs from './jobs.json';
import letter from './letter.json';
import load from './load.json';
import look from './look.json';
import method from './method.json';
import noPage from './no-page.json';
import overview from './overview.json';
import print from './print.json';
import rates from './rates.json';
import readings from './readings.json';
import record from './record.json';
import settings from './settings.json';
import sheets from './sheets.json';
import shop from './shop.json';
import signIn from './sign-in.json';
import talk from './talk.json';
import technicians from './technicians.json';
import terms from './terms.json';
import training from './training.json';
import trials from './trials.json';
import upload from './upload.json';
import welcome from './welcome.json';
import whatIf from './what-if.json';

/** One file for each part of the house that has words. */
export default {
  account,
  bay,
  calibration,
  cautions,
  evidence,
  figures,
  gauges,
  habits,
  hand,
  invitation,
  jobList,
  jobs,
  letter,
  load,
  look,
  method,
  noPage,
  overview,
  print,
  rates,
  readings,
  record,
  settings,
  sheets,
  shop,
  signIn,
  talk,
  technicians,
  terms,
  training,
  trials,
  upload,
  welcome,
  whatIf,
};
