"""The reviewer's double check: blind first, then both side by side, then signed or returned."""
