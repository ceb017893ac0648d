"""What the archive shows: finding, one record, a part number's history, keeping and trust."""
