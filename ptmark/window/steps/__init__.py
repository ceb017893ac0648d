"""One page for each step of the work: Photo, Scale, Indications, Verdict, Record."""
