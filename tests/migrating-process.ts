import { migrate } from '@/lib/store/migrations/migrate';

// Gives the database of the first argument all migrations.
console.log('ready');
await migrate(process.argv[2]);
