package sheet

// Check says what is wrong with the options, if anything is.
func (o Options) Check() error {
	_, err := o.settle()
	return err
}
