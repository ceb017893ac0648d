"""Steps of the database's shape, run by `ptmark.archive.migrating`."""
