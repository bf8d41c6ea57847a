-- Text in the order of its bytes, as in SQLite: lists are then in the same order on every server.
DO $$
DECLARE
    "text" record;
BEGIN
    FOR "text" IN
        SELECT table_name, column_name FROM information_schema.columns
        WHERE table_schema = current_schema() AND table_name <> '_prisma_migrations' AND data_type = 'text'
    LOOP
        EXECUTE format('ALTER TABLE %I ALTER COLUMN %I TYPE TEXT COLLATE "C"', "text".table_name, "text".column_name);
    END LOOP;
END $$;
