"""What the pointer does on the photo: picking, marking out, tracing, editing."""
