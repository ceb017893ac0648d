"""The command line, one small file a verb: scriptable, JSON out, exit codes, no Qt."""
