"""What people take away or look at: command line, PDF, pictures, figures, the measurements file."""
