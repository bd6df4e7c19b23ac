"""What things weigh and what they hold."""
