"""What is sent afterwards, and what people answered."""
